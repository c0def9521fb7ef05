/**
 * Stands in for the workbench's native log module, which would have to be compiled. Output channels are written through
 * it, so it must write files; it needs no rotation, since a run is short.
 */
const { appendFileSync, mkdirSync } = require('node:fs');
const { dirname } = require('node:path');

const levels = ['trace', 'debug', 'info', 'warn', 'error', 'critical'];

class Logger {
  constructor(_kind, _name, file) {
    mkdirSync(dirname(file), { recursive: true });
    this.file = file;
    this.level = levels.indexOf('info');
    this.bare = false; // output channels want their text as it is, without time and level
  }
  getLevel() {
    return this.level;
  }
  setLevel(level) {
    this.level = level;
  }
  clearFormatters() {
    this.bare = true;
  }
  setPattern() {}
  flush() {}
  drop() {}
}

for (const [rank, level] of levels.entries()) {
  Logger.prototype[level] = function write(message) {
    if (rank < this.level) return;
    appendFileSync(this.file, this.bare ? message : `${new Date().toISOString()} [${level}] ${message}\n`);
  };
}

const createLogger = async (name, file) => new Logger('rotating', name, file);
const ignore = () => undefined;

// One by one: the workbench imports this as an ES module, which sees only names that are assigned so.
exports.Logger = Logger;
exports.createRotatingLogger = createLogger;
exports.createAsyncRotatingLogger = createLogger;
exports.setLevel = ignore;
exports.setFlushOn = ignore;
exports.version = 0;
