/** Stands in for the native module that ends an orphaned extension host: the tests end their own processes. */
exports.start = () => undefined;
exports.exit = (status) => process.exit(status);
