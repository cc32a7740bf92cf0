/** Where the site log of a job lies. */
export const logFile = 'site-log.jsonl'

/** Where the days people were last told of lie. */
export const toldFile = 'told-days.json'
