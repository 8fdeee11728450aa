export { thickEndWords } from './card-words.js';
export { EDGE_GUIDE_FEED, FEED_OF, feedRound } from './feed.js';
export { type GrooveCard, type GrooveCut, grooveCards, grooveFeedWords } from './groove-cards.js';
export { MARKING_OUT, markedWords } from './marked-words.js';
export { deepestPass, passesOf, plungeSpacing, plungesOf } from './passes.js';
export type { CardCut, Figure, MarkedOut, Pass, RailSetting, SetupCard, TestCut } from './setup-card.js';
export { type CardRequest, setupCards } from './setup-cards.js';
export { type TestBlank, testBlanks } from './test-blanks.js';
