export { type StickMark, type StickMarkKind, type StoryStick, storySticks } from './marks.js';
