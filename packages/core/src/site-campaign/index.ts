export { checkSiteCampaign } from './check-site-campaign.js'
export { oneAfterOther } from './one-after-other.js'
export { type ShareOptions, shareSite, siteBound } from './share-site.js'
export type { Building, SharedSite, SiteCampaign, SiteInput, Visit } from './site-campaign.js'
