import type { Dimension } from '@dawnlift/core/quantity'

/** A value taken when the job says nothing, and where it comes from. */
export interface Default {
  readonly text: string
  /** Absent: a word, a list or a plain count. */
  readonly dimension?: Dimension
  /** Reference key of `docs/references/document.md`, or `common practice, no source`, or `our choice, no source`. */
  readonly source: string
  readonly why: string
}

const practice = 'common practice, no source'
const ours = 'our choice, no source'
const row = (text: string, dimension: Dimension, source: string, why: string): Default => ({
  text,
  dimension,
  source,
  why,
})
const word = (text: string, source: string, why: string): Default => ({ text, source, why })

const rate = 'a placeholder so that plans can be compared; replace it with your own rate'

/** Every default of the job document, by its path. `dawnlift check --assumed` shows the rows a job rests on. */
export const defaultTable = {
  revision: word('A', ours, 'first issue'),
  units: word('metric', ours, 'how results are shown; any unit may be typed'),
  'site.elevation': row('0 m', 'length', ours, 'sets the air pressure; it hardly matters below 500 m'),
  'site.yAxisBearing': row('0°', 'angle', ours, 'the sheet’s up is taken as true north'),

  'print.beadWidth': row('50 mm', 'length', practice, 'a common nozzle'),
  'print.layerHeight': row('20 mm', 'length', practice, 'a common layer for a 50 mm bead'),
  'print.cornerRadius': row('50 mm', 'length', practice, 'one bead width: the bead tears on sharper corners'),
  'print.overhang': row('12 %', 'share', practice, 'of the bead width per layer; 10 to 15 % is usual'),
  'print.speed': row('150 mm/s', 'speed', practice, 'a pace at which a crew can follow and trim'),

  'walls.base': row('0 m', 'length', ours, 'on the slab'),
  'walls.web': word('zigzag', practice, 'the tie that needs no stop'),
  'walls.webPitch': row('400 mm', 'length', practice, 'wythes tied about every eight bead widths'),
  'walls.relief.rise': row('0 m', 'length', ours, 'the pattern does not lean'),
  'openings.lintel.kind': word('precast', practice, 'set flush into the finished lift'),
  'openings.lintel.height': row('100 mm', 'length', practice, 'five layers of 20 mm; the engineer sizes it'),
  'openings.lintel.bearing': row(
    '200 mm',
    'length',
    '[TMS402]',
    'twice the 100 mm (4 in) least bearing for masonry, since a printed end is not solid; the engineer confirms it',
  ),
  'columns.cover': row('40 mm', 'length', practice, 'cage to the inside of the printed shell'),
  'embeds.method.box': word('cut', practice, 'boxes are sliced into the soft wall'),
  'embeds.method.sleeve': word('set', practice, 'sleeves are laid on a layer and printed over'),
  'embeds.method.pipe': word('gap', practice, 'the web goes round a riser in the cavity'),
  'embeds.method.strap': word('set', practice, 'straps are laid on a layer'),
  'embeds.method.anchor': word('set', practice, 'anchors are laid on a layer'),
  'embeds.method.niche': word('gap', practice, 'niches are left out of the print'),
  'embeds.method.chase': word('gap', practice, 'chases are left out of the print'),
  'embeds.method.plate': word('set', practice, 'plates are laid on a layer'),

  'drawing.joinWithin': row(
    '5 mm',
    'length',
    ours,
    'ends closer than this are one point; every join is reported',
  ),
  'drawing.curveWithin': row(
    '1 mm',
    'length',
    ours,
    'splines and ellipses become lines this close to the curve',
  ),

  'machine.profile': word('gantry-12', ours, 'a small gantry, invented; give your own machine’s figures'),
  'machine.origin': word('1 m, 1 m, 0 m', ours, 'where the building’s origin lies in machine coordinates'),
  'machine.turn': row('0°', 'angle', ours, 'machine and building axes run the same way'),

  'batching.waterTemperature': row('18 °C', 'temperature', practice, 'mains water in summer; measure it'),
  'batching.icePerBatchMost': row('0 kg', 'mass', ours, 'no ice on site'),
  'batching.siloShade': word('no', ours, 'the warmer case; the silo is worked out from sun, wind and sky'),
  'batching.mixingHeat': row('2 K', 'temperatureDifference', practice, 'work of the mixer'),
  'batching.pumpHeat': row('2 K', 'temperatureDifference', practice, 'friction in pump and hose'),
  'batching.hoseLength': row('30 m', 'length', practice, 'pump beside the slab'),
  'batching.hoseDiameter': row(
    '35 mm',
    'length',
    practice,
    'inside; three times the largest aggregate and more',
  ),
  'batching.hoseInSun': word('yes', ours, 'the warmer case'),

  'crew.size': word('5', practice, 'nozzle, pump, two on the wall, one on the mixer'),
  'crew.dayStart': word('6:00', practice, 'about five o’clock in hot weather'),
  'crew.dayEnd': word('20:00', practice, 'end of noisy work in most towns; ask'),
  'crew.longestShift': row('10 h', 'time', practice, 'set-up and wash-out included'),
  'crew.setUp': row('60 min', 'time', practice, 'wetting, priming, calibration'),
  'crew.washOut': row('45 min', 'time', practice, 'pump, hose and nozzle'),
  'crew.changeOver': row('25 min', 'time', practice, 'moving nozzle and hose to another section'),
  'crew.workDays': word('1 2 3 4 5', practice, 'Monday to Friday'),
  'crew.lintelTime': row('15 min', 'time', practice, 'one lintel, levelled'),
  'crew.embedTime': row('2 min', 'time', practice, 'one embed laid on a layer'),
  'crew.pourTime': row('20 min', 'time', practice, 'opening and closing one pour'),

  'rules.liftHeight': row('1 m', 'length', practice, 'at most about 1 m of one section in one go'),
  'rules.overnightCure': row('12 h', 'time', practice, 'a lift stands overnight before the next'),
  'rules.mixTemperatureMost': row(
    '35 °C',
    'temperature',
    '[ACI305.1]',
    '95 °F at discharge unless approved otherwise',
  ),
  'rules.mixTemperatureLeast': row(
    '13 °C',
    'temperature',
    '[ACI306R]',
    '55 °F for sections under 12 in, from memory',
  ),
  'rules.airTemperatureLeast': row('4 °C', 'temperature', '[ACI306R]', '40 °F: cold weather begins'),
  'rules.evaporationMost': row(
    '0.5 kg/m²/h',
    'evaporation',
    '[SFA-curing]',
    'low-bleed mixes: half of 1.0 kg/m²/h',
  ),
  'rules.windMost': row(
    '32 km/h',
    'windSpeed',
    '[MasonryBracing]',
    '20 mph at green masonry, by analogy, from memory',
  ),
  'rules.gustMost': row('56 km/h', 'windSpeed', '[MasonryBracing]', '35 mph, by analogy, from memory'),
  'rules.rainMost': row('0.5 mm/h', 'rain', practice, 'more than a few drops marks a fresh bead'),
  'rules.wbgtMost': row(
    '28 °C',
    'temperature',
    '[ISO7243]',
    'acclimatised crew at moderate work, from memory',
  ),
  'rules.daylightNeeded': word('yes', ours, 'no lights on site unless the job says so'),
  'rules.standSafety': row('1.5', 'share', practice, 'on height; the engineer may ask for more'),
  'rules.imperfection': row('60 %', 'share', practice, 'real prints fall short of theory by 0.5 to 0.7'),
  'rules.dryingMost': row(
    '0.15 kg/m²',
    'massPerArea',
    ours,
    'a film of 0.15 mm of water; prove it with bond tests',
  ),
  'rules.restMost': row('30 min', 'time', practice, 'longest bare time of a layer whatever the weather'),
  'rules.layerTimeMost': row('15 min', 'time', practice, 'longer layers are divided into sections'),

  'costs.currency': word('EUR', ours, rate),
  'costs.machinePerDay': word('1200', ours, rate),
  'costs.crewPerHour': word('32', ours, rate),
  'costs.materialPerTonne': word('320', ours, rate),
  'costs.waterPerCubicMetre': word('3', ours, rate),
  'costs.pourPerCubicMetre': word('180', ours, rate),
  'costs.protectionPerSquareMetre': word('1.5', ours, rate),
  'costs.mobilisation': word('6500', ours, rate),
  'costs.embedEach': word('9', ours, rate),
  'costs.lintelEach': word('95', ours, rate),
  'costs.conventionalPerSquareMetre': word('140', ours, rate),
} as const satisfies Readonly<Record<string, Default>>

export type DefaultPath = keyof typeof defaultTable
