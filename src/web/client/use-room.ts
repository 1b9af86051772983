/**
 * The answer above and the ear below stay in place only where they leave room for what runs between: with large
 * text on a phone they would cover all of it. What is in focus, or is scrolled to, is never behind them
 * (WCAG 2.2, 2.4.11).
 */
import { useEffect } from 'preact/hooks';

/** Of the screen's height: a card's name and one of its buttons still stand in what is left. */
const TAKEN_AT_MOST = 0.72;

export const useRoom = (newestAnswer: string | undefined): void => {
  useEffect(() => {
    const root = document.documentElement;
    const [said, ear] = ['.said', '.ear'].map((name) => document.querySelector<HTMLElement>(name));
    if (!said || !ear) return;
    const look = (): void => {
      const room = window.innerHeight * TAKEN_AT_MOST;
      root.classList.toggle('answer-flows', said.offsetHeight + ear.offsetHeight > room);
      root.classList.toggle('ear-flows', ear.offsetHeight > room);
      const covers = (part: HTMLElement): number =>
        getComputedStyle(part).position === 'sticky' ? part.offsetHeight : 0;
      root.style.scrollPaddingBlock = `${covers(said) + 8}px ${covers(ear) + 8}px`;
    };
    const watch = new ResizeObserver(look);
    for (const part of [said, ear, root]) watch.observe(part);
    window.addEventListener('resize', look);
    return () => {
      watch.disconnect();
      window.removeEventListener('resize', look);
      root.classList.remove('answer-flows', 'ear-flows');
      root.style.scrollPaddingBlock = '';
    };
  }, []);
  // An answer that scrolls away with the page is brought back when it is new.
  useEffect(() => {
    const answer = document.getElementById('answer');
    if (newestAnswer === undefined || answer === null) return;
    const { top } = answer.getBoundingClientRect();
    if (top < 0 || top > window.innerHeight / 2) answer.closest('.said')?.scrollIntoView({ block: 'start' });
  }, [newestAnswer]);
};
