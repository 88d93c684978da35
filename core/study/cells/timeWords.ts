/** How tools head their time, in the languages that they are sold in. */
export const timeWords =
  /^(?:time|t|timestamp|elapsed|relative time|zeit|temps|tiempo|tempo|tijd|seconds?|sec|clock)(?![A-Za-z])/i;
