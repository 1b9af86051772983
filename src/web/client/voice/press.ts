/**
 * Holding or pressing one button. A finger that scrolls never talks: a touch opens the ear only after it
 * rested a moment, and the browser's own taking over (`pointercancel`) drops it. A press that comes without
 * a pointer or a key, as a screen reader's does, opens and ends in turn.
 */

/** `both`: a hold talks while it lasts, a short press starts and the next one ends. */
export type PressWay = 'both' | 'hold' | 'tap';

export interface PressTarget {
  readonly way: () => PressWay;
  readonly isListening: () => boolean;
  /** Open the ear. */
  readonly talk: () => void;
  /** Enough: what was heard is taken. */
  readonly talked: () => void;
  /** Nothing of it is taken. */
  readonly dropped: () => void;
  /** A short press where only a hold counts. */
  readonly tooShort: () => void;
}

/** A finger rests so long before it is taken for a press: a scroll has begun by then. */
const REST_MS = 150;
/** A press at least so long was a hold. */
const HOLD_MS = 400;
/** A finger that moved so many CSS pixels before it rested was on its way elsewhere. */
const SLIP_PX = 12;
/** So many CSS pixels beside the button still count as on it. */
const BESIDE_PX = 24;
/** A click so soon after a press belongs to it. */
const SAME_PRESS_MS = 800;

interface Pressed {
  readonly id: number | 'key';
  readonly from: number;
  readonly x: number;
  readonly y: number;
  /** The ear was open before: this press ends it. */
  readonly ends: boolean;
  timer: ReturnType<typeof setTimeout> | null;
}

/** Listens to one button; gives back what stops that. */
export const attachPress = (button: HTMLElement, target: PressTarget): (() => void) => {
  let pressed: Pressed | null = null;
  let lastPress = Number.NEGATIVE_INFINITY;

  const open = (): void => {
    if (pressed !== null) pressed.timer = null;
    if (target.way() !== 'tap') target.talk();
  };

  const begin = (id: Pressed['id'], at: number, rest: boolean, x = 0, y = 0): void => {
    if (pressed !== null) return;
    const ends = target.isListening();
    pressed = { id, from: at, x, y, ends, timer: null };
    if (ends) return;
    if (rest) pressed.timer = setTimeout(open, REST_MS);
    else open();
  };

  const end = (id: Pressed['id'], at: number): void => {
    if (pressed?.id !== id) return;
    const { from, ends, timer } = pressed;
    pressed = null;
    lastPress = at;
    if (timer !== null) clearTimeout(timer);
    if (ends) return target.talked();
    const held = at - from >= HOLD_MS;
    switch (target.way()) {
      case 'tap':
        return target.talk();
      case 'hold':
        if (held) return target.talked();
        target.dropped();
        return target.tooShort();
      case 'both':
        // A press so short that the ear was not opened yet opens it now, until the next press.
        if (timer !== null) target.talk();
        else if (held) target.talked();
    }
  };

  const cancel = (id: Pressed['id'], at: number): void => {
    if (pressed?.id !== id) return;
    const { timer, ends } = pressed;
    pressed = null;
    lastPress = at;
    if (timer !== null) clearTimeout(timer);
    else if (!ends) target.dropped();
  };

  const isBeside = ({ clientX, clientY }: PointerEvent): boolean => {
    const { left, right, top, bottom } = button.getBoundingClientRect();
    return (
      clientX >= left - BESIDE_PX &&
      clientX <= right + BESIDE_PX &&
      clientY >= top - BESIDE_PX &&
      clientY <= bottom + BESIDE_PX
    );
  };

  const listeners: [string, (event: never) => void, AddEventListenerOptions?][] = [
    [
      'pointerdown',
      (event: PointerEvent) => {
        if (!event.isPrimary || event.button !== 0) return;
        button.setPointerCapture(event.pointerId);
        begin(event.pointerId, event.timeStamp, event.pointerType === 'touch', event.clientX, event.clientY);
      },
    ],
    [
      'pointermove',
      (event: PointerEvent) => {
        if (pressed?.id !== event.pointerId || pressed.timer === null) return;
        if (Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > SLIP_PX)
          cancel(event.pointerId, event.timeStamp);
      },
    ],
    [
      'pointerup',
      (event: PointerEvent) => {
        // Let go elsewhere, it is taken back, as with any button.
        if (isBeside(event)) end(event.pointerId, event.timeStamp);
        else cancel(event.pointerId, event.timeStamp);
      },
    ],
    ['pointercancel', (event: PointerEvent) => cancel(event.pointerId, event.timeStamp)],
    // A capture lost without a release: the finger is no longer ours to wait for.
    ['lostpointercapture', (event: PointerEvent) => cancel(event.pointerId, event.timeStamp)],
    [
      'touchmove',
      (event: TouchEvent) => {
        // Once a finger rested and talks, its trembling must not turn into a scroll.
        if (pressed !== null && pressed.timer === null && event.cancelable) event.preventDefault();
      },
      { passive: false },
    ],
    ['contextmenu', (event: Event) => event.preventDefault()],
    [
      'keydown',
      (event: KeyboardEvent) => {
        if (event.code !== 'Space' && event.code !== 'Enter') return;
        event.preventDefault();
        if (!event.repeat) begin('key', event.timeStamp, false);
      },
    ],
    [
      'keyup',
      (event: KeyboardEvent) => {
        if (event.code !== 'Space' && event.code !== 'Enter') return;
        event.preventDefault();
        end('key', event.timeStamp);
      },
    ],
    // Focus that leaves takes the key's release with it.
    ['blur', (event: Event) => cancel('key', event.timeStamp)],
    [
      'click',
      (event: MouseEvent) => {
        if (event.timeStamp - lastPress < SAME_PRESS_MS) {
          lastPress = Number.NEGATIVE_INFINITY;
          return;
        }
        if (target.isListening()) target.talked();
        else target.talk();
      },
    ],
  ];
  for (const [name, hear, options] of listeners)
    button.addEventListener(name, hear as (event: Event) => void, options);
  return () => {
    if (pressed?.timer) clearTimeout(pressed.timer);
    for (const [name, hear] of listeners) button.removeEventListener(name, hear as (event: Event) => void);
  };
};
