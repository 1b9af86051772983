/** The teacher's page: how the lessons went, where the client said yes to that, and what there is to practise. */
import { render } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Me } from '../../../shared/client/http.js';
import type { labelFile } from '../../../shared/wire/labels.js';
import type { lessonHeld, lessonsView, lessonView } from '../../../shared/wire/lessons.js';
import type { z } from 'zod';
import { Gate } from './gate.js';
import { t } from './language.js';
import { Menu } from './menu.js';
import { save } from './save.js';
import { plainly, service } from './service.js';

type Lessons = z.infer<typeof lessonsView>;

const Held = ({ lesson, me }: { lesson: z.infer<typeof lessonHeld>; me: Me }) => {
  const { locale, timeZone } = me.household;
  const day = new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone }).format(new Date(lesson.at));
  const count = (how: string): number => lesson.tasks.filter((task) => task.how === how).length;
  const id = `held-${lesson.key}`;
  return (
    <section aria-labelledby={id}>
      <h3 id={id}>{t('teach-held', { name: lesson.name, day })}</h3>
      <p>{t('teach-counts', { count: lesson.tasks.length, alone: count('alone'), hinted: count('hint') })}</p>
      <ol>
        {lesson.tasks.map(({ say, how }) => (
          <li key={say}>
            {say} <b>{t(`teach-${how}`)}</b>
          </li>
        ))}
      </ol>
    </section>
  );
};

const ToPractise = ({ lesson }: { lesson: z.infer<typeof lessonView> }) => (
  <details>
    <summary>{t('teach-lesson', { number: lesson.number, name: lesson.name })}</summary>
    <p>{lesson.purpose}</p>
    {lesson.cautions.map((caution) => (
      <p class="warn" key={caution}>
        {caution}
      </p>
    ))}
    <ol>
      {lesson.tasks.map(({ say, hints }) => (
        <li key={say}>
          {say}
          <ul aria-label={t('teach-hints')}>
            {hints.map((hint) => (
              <li key={hint}>{hint}</li>
            ))}
          </ul>
        </li>
      ))}
    </ol>
  </details>
);

const Teach = ({ me }: { me: Me }) => {
  const [all, setAll] = useState<Lessons | null>(null);
  const [error, setError] = useState('');
  const [news, setNews] = useState('');

  const look = (): void => {
    service.call<Lessons>('GET', '/v1/lessons').then(
      (found) => {
        setAll(found);
        setError('');
      },
      (reason: unknown) => setError(plainly(reason)),
    );
  };
  useEffect(look, []);

  const download = async (): Promise<void> => {
    try {
      const file = await service.call<z.infer<typeof labelFile>>('GET', '/v1/lessons/report');
      save(file);
      setError('');
      setNews(t('teach-ready', { name: file.name }));
    } catch (reason) {
      // It may have been taken back since the page was opened.
      setNews('');
      setError(plainly(reason));
      look();
    }
  };

  return (
    <main id="main">
      <h1>{t('teach-title')}</h1>
      <p role="alert" class="notice">
        {error}
      </p>
      {all !== null && (
        <>
          <section aria-labelledby="went">
            <h2 id="went">{t('teach-went')}</h2>
            {all.sharing === 'yes' ? (
              <>
                {all.held.length === 0 && <p>{t('teach-none-held')}</p>}
                {all.held.map((lesson) => (
                  <Held key={lesson.key} lesson={lesson} me={me} />
                ))}
                <p>{t('teach-take-back')}</p>
                <button type="button" onClick={() => void download()}>
                  {t('teach-file')}
                </button>
              </>
            ) : (
              <p>{t(all.sharing === 'no' ? 'teach-not-shared' : 'teach-not-asked')}</p>
            )}
            <div class="row">
              <button type="button" onClick={look}>
                {t('teach-look-again')}
              </button>
            </div>
            <p role="status" class="outcome">
              {news}
            </p>
          </section>
          <section aria-labelledby="lessons">
            <h2 id="lessons">{t('teach-lessons')}</h2>
            {all.lessons.length === 0 ? (
              <p>{t('teach-no-lessons')}</p>
            ) : (
              <>
                <p>{t('teach-how')}</p>
                <p>{t('teach-guidance')}</p>
                {all.lessons.map((lesson) => (
                  <ToPractise key={lesson.key} lesson={lesson} />
                ))}
              </>
            )}
          </section>
        </>
      )}
    </main>
  );
};

/** One who may only talk practises by talking; how it went is for a device that may help. */
const ForTeachers = () => (
  <main id="main">
    <h1>{t('teach-title')}</h1>
    <p>{t('teach-by-talking')}</p>
    <p>{t('teach-for-helpers')}</p>
  </main>
);

const Page = () => (
  <Gate here="teach">
    {(me) => (
      <>
        <Menu here="teach" household={me.household.name} />
        {me.device.scope === 'speak' ? <ForTeachers /> : <Teach me={me} />}
      </>
    )}
  </Gate>
);

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
