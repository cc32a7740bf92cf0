export type { LayerRoute, Pass, SectionRoutes, Travel } from './pass.js'
