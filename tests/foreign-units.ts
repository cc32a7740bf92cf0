/** A number with a unit of one house, or a head that names one: what the other house must not be given to read. */
const foreign = {
  imperial:
    /(?:\d[\d ]*|\()(?:mm|cm|m|km|mm²|cm²|m²|m2|m³|m3|kg|kg\/m³|t|L|mL|L\/min|kg\/h|mm\/h|Pa|kPa|MPa|bar|°C|K|km\/h|m\/s|mm\/s|kg\/m²h|kW|litres?|metres?)(?=[\s"<),.;:]|$)/g,
  metric:
    /(?:\d[\d ]*|\()(?:ft|lb|lbs|gal|psi|yd|yd³|ft²|in²|ft³|lb\/ft³|lb\/ft²|lb\/ft²h|gal\/min|lb\/h|°F|mph|in\/s|in\/h|feet|inch(?:es)?)(?=[\s"<),.;:]|$)|\d\.\d+ in\b|\d' \d/g,
} as const

/** What a text says in units its reader does not use, each once. A paper's own size stays in millimetres. */
export const foreignUnits = (text: string, house: keyof typeof foreign): readonly string[] => [
  ...new Set(text.replace(/<svg[^>]*>/g, '').match(foreign[house]) ?? []),
]
