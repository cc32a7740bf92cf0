export { type Behind, Caution, Figure, OpenNumber } from './figure.js'
export { Picture } from './picture.js'
export { ProblemList } from './problem-list.js'
export { WithPlan } from './with-plan.js'
