export { SitePlace } from './site-place.js'
