export const Bench = () => <p class="form">Bench</p>;
