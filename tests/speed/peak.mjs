/** Loaded before a measured program: at its end, what it used goes to file descriptor 3 as JSON; KB and microseconds. */
import { writeSync } from 'node:fs';
import process from 'node:process';

process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, JSON.stringify({ maxRSS, cpu: userCPUTime + systemCPUTime }));
});
