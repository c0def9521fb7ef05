/** A call or a file that cannot be read: said in one line on standard error, exit status 2. */
export class CallProblem extends Error {}
