import type { Finding } from '../result/index.js'

const gravity = { pass: 0, warn: 1, 'outside-range': 2, fail: 3 } as const

/** One finding of each check: the gravest and farthest out, with how many more say the same. What passes is left out. */
export function gathered(findings: readonly Finding[]): readonly Finding[] {
  const kinds = new Map<string, Finding[]>()
  for (const finding of findings) {
    if (finding.verdict === 'pass') continue
    kinds.set(finding.check, [...(kinds.get(finding.check) ?? []), finding])
  }
  return [...kinds.values()].map(same => {
    const worst = same.reduce((a, b) => (isGraver(b, a) ? b : a))
    return same.length === 1 ? worst : { ...worst, at: `${worst.at} and ${same.length - 1} more` }
  })
}

const isGraver = (a: Finding, b: Finding): boolean =>
  gravity[a.verdict] - gravity[b.verdict] > 0 ||
  (a.verdict === b.verdict && Math.abs(a.demand - a.capacity) > Math.abs(b.demand - b.capacity))
