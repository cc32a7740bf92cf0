/** Sentences about what would change the days: levers, and what waiting buys; and about what stands already. */
export const englishChoices = {
  levers: {
    title: 'What would buy days',
    start: 'Pull the levers',
    hint: 'Each is planned for real, alone and with others; it may take a minute. Rows come as they are planned.',
    working: 'pulling levers',
    heads: (currency: string) => [
      'lever',
      'print days',
      'the last lift',
      'sooner',
      `cost, ${currency}`,
      'safety',
      'then binds',
    ],
    asItStands: 'as planned',
    together: (count: number, names: string) => `Best ${count === 2 ? 'pair' : 'triple'}: ${names}`,
    notUp: 'not in time',
    sooner: (days: number | undefined) => {
      if (days === undefined || days === 0) return '·'
      const many = `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`
      return days > 0 ? many : `${many} later`
    },
    noPrice: (what: string) => `Not in the cost: ${what}`,
    all: (count: number) => `Show all ${count} settings`,
    bestOnly: 'Show the best setting of each',
    measure:
      'Planned in brisk steps, the plan as it stands too, so that rows compare. Cost is by the job’s own rates, over the plan as it stands; * something it needs has no price here.',
    caution:
      'Safety is the least standing capacity over demand of any lift: a screening value. Local codes and a licensed engineer decide; longer shifts and night work need rest, light and permission.',
    needs: 'What each takes for granted, and what it needs first',
    first: (what: string) => `First: ${what}.`,
    unpriced: (what: string) => `Not in the cost: ${what}.`,
    notHere: (names: string) => `No use here, or nothing it could be set to: ${names}.`,
  },
  shells: {
    title: (lift: string) => `${lift} as a whole section`,
    start: 'Check with shells',
    hint: 'The plan judges strips of wall. This takes every bead of the section together: some seconds.',
    working: 'pressing on the whole section',
    factor: 'times its weight before it buckles',
    strips: 'the same by the strips that plan',
    height: 'over the lift’s foot, where it moves most',
    none: 'The section does not buckle under any weight that the shells were asked for.',
    picture: (lift: string) => `How lift ${lift} would lean over`,
    how: 'The smallest λ with (K − λ·G)·x = 0: stiffness K of every bead of the section as a shell, each layer at its own age, against the forces G of its own weight; x is how it moves. Perfect geometry on the lower band of the mix, no safety taken off.',
    inputs: {
      lift: 'lift',
      layers: 'layers',
      temperature: 'ages by',
      mix: 'mix',
      unknowns: 'unknown movements',
      asked: 'safety the plan asks for',
      planned: 'safety of the plan',
    },
    byClock: 'the end of each layer',
    source:
      'linear buckling of eight-node shells with reduced integration [Zienkiewicz1971], from memory; held against an outside solver on the same meshes',
    caution:
      'Perfect geometry on the lower band of the mix: real prints fall short. A screening value; confirm by test, keep people out of the zone beside the wall; local codes and a licensed engineer decide.',
  },
  tradeOff: {
    title: 'What waiting would buy',
    start: 'Weigh them up',
    hint: 'The soonest, the cheapest and the calmest days, each planned for real.',
    working: 'planning other ways',
    picture: 'Ways to run the campaign, by their last day and their cost',
    none: 'The job is not up while the weather is known: there is nothing to weigh.',
    alone: 'Waiting buys nothing here: the soonest days are the cheapest and the calmest as well.',
    aims: { soonest: 'soonest', cheapest: 'cheapest', calmest: 'calmest' },
    byThen: (aim: string) => `${aim} by then`,
    heads: (currency: string) => ['way', 'the last lift', `cost, ${currency}`, 'days', 'lifts', 'safety'],
    lifts: (count: number) => (count === 1 ? '1 lift' : `${count} lifts`),
    planned: '(as planned)',
    beaten: '(another is as good in everything)',
    first: 'What counts first',
    measure:
      'Calm is told by lifts: each is a start of the nozzle and a joint to cure. Choosing one writes what counts first into the job; undo brings the old days back.',
    caution:
      'Safety is the least standing capacity over demand of any lift: a screening value. Local codes and a licensed engineer decide.',
  },
  ofWhatIsLeft:
    'Days, lifts and costs are of what is left: what stands, and what is paid whatever the days, is not counted.',
} as const
