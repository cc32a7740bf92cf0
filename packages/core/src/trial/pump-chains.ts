import type { LayerRoute, Pass } from '../route/index.js'

/** Passes that follow one another without a stop of the pump. */
export function chainsOf({
  passes,
  travels,
}: Pick<LayerRoute, 'passes' | 'travels'>): readonly (readonly Pass[])[] {
  const chains: Pass[][] = []
  passes.forEach((pass, i) => {
    const last = chains[chains.length - 1]
    if (last && travels[i]?.joined) last.push(pass)
    else chains.push([pass])
  })
  return chains
}
