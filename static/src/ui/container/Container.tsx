export default () => <p class="form">Container</p>;
