/** Sentences of the places along the job and of the frame around them. */
export const englishPlaces = {
  understood: 'understood',
  /** One line a place, until it has been read. */
  quiet: {
    site: 'Write here where it stands, who prints with what, and your own rules; the plan follows every line.',
    mix: 'Paste your own tests: the plan then rests on your mix instead of a guess.',
    days: 'Choose a lift to see what stopped it, and try what would buy more.',
    trades: 'Open a call to see where on the wall; tick it when the trade has said yes.',
    today: 'Drag the clock below to any moment; on a print day “Now” follows the real one.',
    tally: 'What the job takes and costs; open any number to see how it is reckoned.',
  },
  findings: (count: number) => (count === 1 ? 'One thing to look at' : `${count} things to look at`),
  verdicts: { fail: 'Fails', warn: 'Mind', 'outside-range': 'Out of range', pass: 'Fine' },
  agreements: { open: 'not asked', confirmed: 'confirmed', moved: 'moved since' },
  field: {
    assumed: 'assumed',
    fromProfile: 'from the profile',
    reset: 'reset',
    usual: (text: string) => `back to the usual ${text}`,
    asProfile: 'back to what the profile says',
    without: (what: string) => `take it out: ${what}`,
  },
  ownRules:
    'Some rules that keep people safe are the job’s own. Local codes and a licensed engineer decide; confirm on site by test.',
  standing:
    'A green wall can fall without warning: stay farther from it than it is high until the engineer says it stands. Screening values; local codes and a licensed engineer decide.',
  mixCaution:
    'Curves of a laboratory or of another week are not today’s mix: test the first batch each morning. Fresh concrete burns skin and eyes; dry dust holds silica. Screening values; a licensed engineer decides.',
  waterCaution:
    'Reckoned from the weather given: measure the first batch and every hour in the heat. A mix over its limit sets in the hose.',
  hoseCaution:
    'A blocked hose under pressure injures: release it before opening, stand clear of couplings, follow the maker’s instructions and local rules.',
  crewCaution:
    'Heat on the crew is reckoned for moderate work of people used to it; measure on site, drink and rest by local rules.',
  callCaution:
    'Hands off the wall while the nozzle runs. Cutting dry raises silica dust; fresh concrete burns. The engineer confirms lintels, anchors and straps.',
  moving: {
    title: 'The days, to be moved',
    hint: 'Drag a lift to another day, or choose it and press the arrow keys, then Enter; Escape puts it back. You see what breaks before anything is settled.',
    board: 'Print days by week',
    chip: (lift: string, day: string, pinned: boolean) => `${lift}, ${day}${pinned ? ', pinned' : ''}`,
    over: (lift: string, day: string) => `${lift} to ${day}: Enter to try`,
    working: 'Planning the days anew',
    goes: (lift: string, day: string) => `${lift} on ${day}`,
    fits: 'It fits: nothing is in its way.',
    days: (before: number, after: number) =>
      before === after ? `${after} print days as before` : `print days ${before} → ${after}`,
    finish: (before: string, after: string) =>
      before === after ? `the last lift on ${after} as before` : `the last lift ${before} → ${after}`,
    others: (count: number) => (count === 1 ? 'One other lift moves' : `${count} other lifts move`),
    none: 'no other lift moves',
    gone: 'not printed',
    pin: 'Pin it there',
    leave: 'Leave it',
    pinned: 'Pinned',
    unpin: (lift: string) => `Take the pin off ${lift}`,
    noSuch: 'The plan has no such lift any more.',
    caution: 'Planned in brisk steps: the plan itself, made when you pin it, may come out a little better.',
  },
  doubtHint: 'Weather alone, unless you know your own mishaps.',
  doubtCaution: 'How sure a date is, not whether it is safe to print: that is decided each morning on site.',
  replaying: 'Running the campaign again and again',
  how: {
    standing:
      'Height the green wall could stand at the end of the lift over the height it has; the least of first-layer shape, plastic collapse and buckling, on the lower band of the mix.',
    pause:
      'Longest resting time that bond allows at this hour, less the time the layers rest anyway; the least over this lift.',
    binding: 'This stopped the lift: one layer more would have gone past it.',
    runnerUp: 'Next in line: with the limits above out of the way, this would have stopped the lift.',
    pressure:
      'Pressure for this flow through this hose while the mix slips on a layer of paste, and for lifting it to the nozzle.',
    water:
      'Heat of dry material, water and mixing, pumping and hose in balance, solved for the water at which the mix just meets its limit.',
  },
  mix: {
    farOff: 'Far off the curve, still counted. Test again, or leave out what went wrong on the site:',
    leaveOut: (at: string) => `Leave out ${at}`,
    leftOut: (count: number) => (count === 1 ? 'One test is left out:' : `${count} tests are left out:`),
    countAgain: (test: string) => `Count again: ${test}`,
  },
  monthlyMeans: 'monthly means in the job',
  dropWeather: 'or drop an EPW, TMY3 or CSV file here',
  defaultMix: 'The default mix: wide bands, no tests of this site.',
  noTests:
    'No tests yet. A vane every quarter of an hour over two hours, on the mix as pumped, already tells much.',
  testsLabel: 'One test a line: paste from a spreadsheet, heads in the first line, units in heads or cells',
  testsHead: 'kind,age,temperature,stress,strength,stiffness,density\n',
  noFormula: 'No formula speaks of that.',
  noDownloads: 'The local server makes these files and is away just now.',
  tabDownloads:
    'This job lives only in this tab: open its folder with the local server to have its files made.',
  folders: {
    tables: 'Tables for a spreadsheet',
    sheets: 'Sheets to print',
    calendars: 'Calendars',
    machine: 'Machine files',
    drawings: 'Drawings',
    other: 'Other files',
  },
  nowOutside: 'The campaign is not under way today',
  serverAway: 'The local server is away. Everything goes on here and is sent when it is back.',
  newerJob: 'A newer program saved this job: it is only looked at here, nothing is written.',
  serverRefuses: 'Kept here, not on disk yet; it is tried again every few seconds.',
  keepsNothing:
    'This browser has no room to keep edits: leave the page open until it says “Saved”, or save a copy.',
  conflict: 'The job was changed elsewhere while you had changes of your own.',
  keepMine: 'Keep mine',
  takeTheirs: 'Take theirs',
  droppedUseless: (names: string) =>
    `Nothing here can be made of ${names}. A job is a .yaml with its files; drawings (.dxf) go to Walls, weather (.epw, .csv) to Site.`,
  dropJob: 'Drop to open this job',
  openedInTab: 'This job lives only in this tab.',
  saveCopy: 'Save a copy',
  toContent: 'To the content',
} as const
