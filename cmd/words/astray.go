package words

// Astray says of a batch that was followed that its figures are not to be trusted.
const Astray = "Do not rely on what is reckoned and forecast of this batch: hardly any forecast agrees with all of its readings."
