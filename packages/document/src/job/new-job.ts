/** A commented job that plans as it stands: one rectangular room with a door and a window. */
export const newJobText = (name: string): string => template.replace('{name}', () => JSON.stringify(name))

const template = `# A Dawnlift job. Every quantity is text with its unit: 2.46 m, 8' 1 1/2", 32 °C, 90 °F, 7 min, 0.5 kg/m²/h.
# What is left out is assumed; "dawnlift check --assumed" lists it with where it comes from.
dawnlift: 1                       # version of this document
name: {name}
revision: A
units: metric                     # how results are shown: metric or imperial

site:
  name: the yard                  # replace by the place; it stands on every sheet
  latitude: 41.2°                 # north positive
  longitude: -3.4°                # east positive
  elevation: 300 m
  timeZone: Europe/Madrid         # IANA name
  yAxisBearing: 0°                # bearing of the sheet's up, clockwise from north

calendar:
  firstDay: 2026-05-04            # first day anybody may print

# Climate of an ordinary year, January first. Replace by the figures of the nearest station,
# or by a file:  { file: hours.epw }
weather:
  source: invented, an inland plain at 41° north
  normals:
    - { high: 8 °C,  low: 0 °C,  dewPoint: 1 °C,  wind: 9 km/h,  rainDays: 6, rain: 35 mm, sun: 7 MJ/m²/d }
    - { high: 10 °C, low: 1 °C,  dewPoint: 1 °C,  wind: 10 km/h, rainDays: 6, rain: 33 mm, sun: 10 MJ/m²/d }
    - { high: 14 °C, low: 4 °C,  dewPoint: 3 °C,  wind: 11 km/h, rainDays: 6, rain: 32 mm, sun: 15 MJ/m²/d }
    - { high: 17 °C, low: 6 °C,  dewPoint: 5 °C,  wind: 11 km/h, rainDays: 7, rain: 45 mm, sun: 19 MJ/m²/d }
    - { high: 21 °C, low: 9 °C,  dewPoint: 8 °C,  wind: 10 km/h, rainDays: 7, rain: 48 mm, sun: 23 MJ/m²/d }
    - { high: 27 °C, low: 14 °C, dewPoint: 11 °C, wind: 10 km/h, rainDays: 4, rain: 28 mm, sun: 26 MJ/m²/d }
    - { high: 31 °C, low: 17 °C, dewPoint: 12 °C, wind: 10 km/h, rainDays: 2, rain: 14 mm, sun: 27 MJ/m²/d }
    - { high: 30 °C, low: 17 °C, dewPoint: 12 °C, wind: 10 km/h, rainDays: 2, rain: 15 mm, sun: 24 MJ/m²/d }
    - { high: 25 °C, low: 13 °C, dewPoint: 10 °C, wind: 9 km/h,  rainDays: 4, rain: 28 mm, sun: 18 MJ/m²/d }
    - { high: 18 °C, low: 9 °C,  dewPoint: 8 °C,  wind: 9 km/h,  rainDays: 7, rain: 50 mm, sun: 12 MJ/m²/d }
    - { high: 12 °C, low: 4 °C,  dewPoint: 4 °C,  wind: 9 km/h,  rainDays: 7, rain: 48 mm, sun: 8 MJ/m²/d }
    - { high: 9 °C,  low: 1 °C,  dewPoint: 2 °C,  wind: 9 km/h,  rainDays: 7, rain: 42 mm, sun: 6 MJ/m²/d }

# Walls: a centreline and a make-up. Draw them here, or in a DXF beside this file:
# drawing:
#   file: plan.dxf
#   unit: mm
#   layers:
#     WALLS: { is: walls, type: outer }
wallTypes:
  outer: { makeUp: double, thickness: 250 mm, height: 2.6 m, web: zigzag, webPitch: 400 mm }

walls:
  - id: W1
    name: room
    type: outer
    # closed, since it ends where it starts; an arc is written { to: [x, y], through: [x, y] }
    path: [[0 m, 0 m], [4.8 m, 0 m], [4.8 m, 3.6 m], [0 m, 3.6 m], [0 m, 0 m]]

openings:
  - { id: D1, wall: W1, kind: door, at: 1.4 m, width: 1 m, head: 2.1 m, lintel: {} }
  - { id: F1, wall: W1, kind: window, at: 10.8 m, width: 1.2 m, sill: 900 mm, head: 2.1 m, lintel: {} }

embeds:
  - { id: E1, wall: W1, kind: box, trade: electrical, face: left, at: 2.6 m, bottom: 1.1 m, width: 70 mm, height: 80 mm, depth: 50 mm }

print:
  beadWidth: 50 mm
  layerHeight: 20 mm

machine:
  profile: gantry-12              # then overwrite what differs: reach, speeds, pump

mix: default                      # until the site has tests of its own

crew:
  size: 5
  dayStart: 6:00
  dayEnd: 20:00

rules:
  liftHeight: 1 m                 # tallest lift of one section in one go
`
