import type { Finding } from '../result/index.js'

/** A finding of kind fail about the campaign. */
export function fault(
  check: string,
  at: string,
  demand: number,
  capacity: number,
  unit: string,
  say: string,
): Finding {
  return { check: `campaign/${check}`, at, demand, capacity, unit, source: 'the job', verdict: 'fail', say }
}
