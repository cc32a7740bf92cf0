export { scenes } from './scenes.js'
export { smallCampaign } from './small-campaign.js'
export { smallJob } from './small-job.js'
export { smallCutWindow, smallPlan, smallSay, smallSections } from './small-plan.js'
