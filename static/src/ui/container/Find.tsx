export default () => <p class="form">Find</p>;
