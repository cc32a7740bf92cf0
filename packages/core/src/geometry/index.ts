export type { Path, Point, Polygon } from './path.js'
