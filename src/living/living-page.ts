import { type Misplaced, TenonwrightError } from '../errors.js';
import type { LivingData, LivingState, ToldPiece } from '../files/index.js';
import { type Looker, onPage, type PreviewData } from '../viewer/index.js';
import { handOver, make } from './elements.js';
import { type Engine, startEngine } from './engine.js';
import { linkOf, stateOfLink } from './link.js';
import type { Answer, Asked } from './messages.js';
import { pieceEditor } from './piece-editor.js';
import { wireSaving } from './saving.js';
import { type ShopTold, wireShop } from './shop-told.js';
import { showPicture } from './show-picture.js';
import { sizeControls } from './size-controls.js';
import { picturesElsewhere, sizesYaml, yamlName } from './sizes-yaml.js';
import { sameState, storyOf } from './story.js';
import { tellChanges, tellParts } from './told-parts.js';
import { verdictShown } from './verdict-shown.js';
import { wordsAt } from './words-at.js';

/** The preview's own script, which runs before this one. */
declare const viewer: { readonly looker: Looker };

/** What the colours below a slider mean. */
const RED = 'Red: the sizes alone already say no there, while the others stay; point at a size to read why.';
const PROVED = `Green below a slider: proved sound in full, one size at a time while the others are as planned. ${RED} Each size you choose is checked in full.`;
const NOT_PROVED = `No range was proved for this design: sliders go to the limits of each size. ${RED} Each size you choose is checked in full.`;

function start(): void {
  const { looker } = viewer;
  const renderer = document.getElementById('renderer')?.textContent ?? undefined;
  const living = JSON.parse(onPage('living').textContent ?? '') as LivingData;
  const story = storyOf(living.start);
  const verdict = verdictShown();
  let engine: Engine | undefined;
  let asked = 0;
  /** What was asked last, and is answered or being answered. */
  let working: LivingState | undefined;
  let cured = 0;
  let { form } = living;
  /** Whether that is the form of what was asked last. */
  let formed = false;
  let shown = living.start.design;

  const designOf = ({ design }: LivingState) => living.designs.find(({ name }) => name === design);
  const toldOf = (state: LivingState) => state.told ?? designOf(state)?.told;
  /** How the design shown was published. */
  const published = (): LivingState => {
    const { told: _, ...now } = story.now();
    return now.design === living.start.design ? living.start : { ...now, given: {} };
  };
  const show = (dragged = false): void => {
    onPage<HTMLButtonElement>('undo').disabled = !story.canUndo();
    onPage<HTMLButtonElement>('redo').disabled = !story.canRedo();
    onPage<HTMLButtonElement>('reset').disabled = sameState(story.now(), published());
    onPage<HTMLSelectElement>('units').value = story.now().units;
    onPage<HTMLSelectElement>('piece').value = story.now().design;
    editor.show(toldOf(story.now()));
    shop.show(story.now());
    // a slider that is let go where it was dragged to says nothing new
    if (working && sameState(story.now(), working)) {
      if (formed) tellSizes();
      return;
    }
    verdict.wait();
    for (const id of ['link-label', 'link-refusal', 'cure']) onPage(id).hidden = true;
    if (!engine) return;
    working = story.now();
    formed = false;
    asked = engine.show(working, dragged);
  };
  const given = (option: string, text: string | undefined): LivingState => {
    const { [option]: _, ...others } = story.now().given;
    return { ...story.now(), given: text === undefined ? others : { ...others, [option]: text } };
  };
  const sizes = sizeControls(onPage('sizes-form'), {
    touch: (option, text) => {
      story.touch(given(option, text));
      show(true);
    },
    give: (option, text) => {
      story.step(given(option, text));
      show();
    },
    units: () => story.now().units,
  });
  const write = (told: ToldPiece): LivingState => {
    const { told: _, ...now } = story.now();
    return told.text === designOf(now)?.told?.text ? now : { ...now, told };
  };
  const editor = pieceEditor(
    {
      touch: (told) => {
        story.touch(write(told));
        show(true);
      },
      step: (told) => {
        story.step(write(told));
        show();
      },
      forget: () => {
        const { told: _, ...now } = story.now();
        story.step(now);
        (document.activeElement as HTMLElement | null)?.blur();
        show();
      },
    },
    (text, at) => (engine ? wordsAt(text, at, engine.schema) : []),
  );
  const pieces = onPage<HTMLSelectElement>('piece');
  pieces.append(
    ...living.designs.map(({ name, title }) =>
      make('option', { value: name, textContent: `${name}: ${title}` }),
    ),
  );
  onPage('choose').hidden = living.designs.length < 2;
  pieces.addEventListener('change', () => {
    const { told: _, ...now } = story.now();
    story.step(
      pieces.value === living.start.design
        ? { ...now, ...living.start }
        : { ...now, design: pieces.value, given: {} },
    );
    show();
  });
  const tellSizes = (): void => {
    // ranges are of the text they were proved for
    const design = story.now().told ? undefined : designOf(story.now());
    sizes.show(form, story.now().units, design);
    onPage('ranges-note').textContent = design?.ranges ? PROVED : NOT_PROVED;
  };
  tellSizes();

  const refuse = (text: string | undefined, places: readonly Misplaced[] = []): void => {
    const refused = text !== undefined;
    document.documentElement.toggleAttribute('data-ghost', refused);
    onPage('refusal').hidden = !refused;
    onPage('refusal').textContent = text ?? '';
    sizes.refuse(places);
    editor.refuse(text);
    shop.refuse(places);
    if (refused) verdict.refuse();
    saving.allow(!refused);
  };
  const saving = wireSaving(
    () => story.now(),
    (wanted, force) => engine!.save(story.now(), wanted, force),
    () => (renderer === undefined ? picturesElsewhere(story.now(), living.written) : ''),
  );

  const tell = ({ data, panel }: { readonly data: PreviewData; readonly panel: string }): void => {
    looker.show(data);
    tellParts(panel);
  };
  const hear = (answer: Answer): void => {
    if (saving.hear(answer)) return;
    if (answer.kind === 'shop') shop.hear(answer.number, answer.fields);
    if (answer.kind === 'cured' && answer.number === cured) {
      tell(answer);
      onPage('cure').hidden = true;
      verdict.found();
    }
    // a picture is shown however old: the next one is on its way
    if (answer.kind === 'picture') {
      showPicture(looker, answer.data, answer.still, shown === answer.design);
      shown = answer.design;
    }
    if (answer.number !== asked) return;
    switch (answer.kind) {
      case 'form':
        refuse(undefined);
        form = answer.form;
        formed = true;
        tellSizes();
        break;
      case 'refused':
        refuse(answer.text, answer.places);
        break;
      case 'glance':
        verdict.glance(answer.errors);
        break;
      case 'verdict':
        verdict.show(answer);
        saving.failed(answer.errors > 0);
        onPage('cure').hidden = answer.errors === 0;
        break;
      case 'told':
        tell(answer);
        break;
      case 'changed':
        tellChanges(answer.lines);
        break;
      case 'red':
        sizes.redden(answer.option, answer.spans);
        break;
      case 'settled':
        document.documentElement.dataset.settled = String(answer.number);
        break;
      case 'fault':
        working = undefined;
        refuse(
          `This is a fault of the program, not of your sizes; please report it with these lines:\n${answer.text}`,
        );
        break;
      default:
    }
  };
  const stopped = (was: Asked): void => {
    const seconds = living.patience / 1000;
    if (saving.stopped(was)) return;
    if (was.number === cured) verdict.found();
    if (was.number !== asked) return;
    working = undefined;
    refuse(
      `These sizes took longer than ${seconds} s to work out and were stopped. Go back a step, or change them.`,
    );
  };

  const go = (to: () => boolean) => (): void => {
    if (to()) show();
  };
  onPage('undo').addEventListener('click', go(story.undo));
  onPage('redo').addEventListener('click', go(story.redo));
  onPage('reset').addEventListener('click', () => {
    story.step(published());
    show();
  });
  onPage('units').addEventListener('change', () => {
    story.step({ ...story.now(), units: onPage<HTMLSelectElement>('units').value as LivingState['units'] });
    show();
  });
  onPage('copy-link').addEventListener('click', () => {
    const link = onPage<HTMLInputElement>('link');
    onPage('link-label').hidden = false;
    let fragment = '';
    try {
      fragment = linkOf(story.now(), onPage<HTMLInputElement>('link-shop').checked);
    } catch (error) {
      if (!(error instanceof TenonwrightError)) throw error;
      return tellAmiss(error.message);
    } finally {
      link.value = fragment && `${window.location.href.split('#')[0]}#${fragment}`;
    }
    tellAmiss('');
    link.select();
    // not every browser lets a page from a disk do it: the link stands there to be copied
    navigator.clipboard?.writeText(link.value).catch(() => {});
  });
  onPage('save-yaml').addEventListener('click', () =>
    handOver(yamlName(story.now().design), sizesYaml(story.now(), living.written), 'text/yaml'),
  );
  onPage('cure').addEventListener('click', () => {
    verdict.look();
    cured = engine!.cure(story.now());
  });
  /** Goes where the address says; what is wrong with it, in words. */
  const follow = (): string => {
    if (window.location.hash.length < 2) return '';
    try {
      const linked = stateOfLink(window.location.hash, living.designs);
      // the shop is the person's own where the link carries none, and a text is of one piece
      const { told: _, ...now } = story.now();
      story.step({ ...now, ...linked });
      if (linked.shop) shop.open();
      return '';
    } catch (error) {
      if (!(error instanceof TenonwrightError)) throw error;
      return error.message;
    }
  };
  /** The picture is not that of the link: only the link is told to be amiss. */
  const tellAmiss = (words: string): void => {
    onPage('link-refusal').hidden = words === '';
    onPage('link-refusal').textContent = words;
  };
  window.addEventListener('hashchange', () => {
    const amiss = follow();
    if (amiss === '') show();
    tellAmiss(amiss);
  });
  const shop: ShopTold = wireShop(
    (told) => {
      const { shop: _, ...now } = story.now();
      const own = told ?? living.start.shop;
      story.step(own ? { ...now, shop: own } : now);
      if (engine) show();
    },
    (state) => engine?.shop(state),
  );
  const amiss = follow();
  for (const id of ['standing', 'living-controls']) onPage(id).hidden = false;
  engine = startEngine(
    {
      engine: onPage('engine').textContent ?? '',
      renderer,
      viewer: onPage('viewer').textContent ?? '',
    },
    living,
    looker.stage === undefined,
    { hear, stopped },
  );
  show();
  tellAmiss(amiss);
  document.documentElement.dataset.living = 'yes';
}

start();
