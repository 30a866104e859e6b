// Loaded before a program that is measured: writes what its process used to the file that BENCH_USAGE names.
const { writeFileSync } = require('node:fs');

process.on('exit', () => {
  const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
  const usage = { cpuSeconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 };
  writeFileSync(process.env.BENCH_USAGE, JSON.stringify(usage));
});
