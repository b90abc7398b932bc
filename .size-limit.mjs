const maths = [
  "calibrateScale, deflectionForThrow, drive, fromOzfIn, gridNeighbours, halfPulse, hingeMoment, nextReading",
  "responseFromLinkage, responseFromReadings, roundInside, roundInward, roundPercent, servoLoad, throwAt, toPercent, toPulse",
].join(", ");

// Minified and gzipped, with every dependency, as a bundler would take it from the built packages.
const budgets = [
  ["pulse and percent, one conversion of units", "{ toPercent, toPulse, fromInch }", "0.5 kB"],
  ["the maths: signal, throw, load, linkage, response", `{ ${maths} }`, "15 kB"],
  ["the maths and a linkage fitted to readings", `{ ${maths}, fitLinkage }`, "36 kB"],
  ["compile, with every sentence and the form of a model", "{ compile }", "116 kB"],
  ["a model read from JSON, with zod", "{ parseModel }", "106 kB", "schema"],
];

export default budgets.map(([name, names, limit, entry = "index"]) => ({
  name,
  path: `packages/core/dist/${entry}.js`,
  import: names,
  limit,
  gzip: true,
  modifyEsbuildConfig: (config) => ({ ...config, logLevel: "error" }),
}));
