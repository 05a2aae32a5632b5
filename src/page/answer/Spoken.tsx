/** For those who hear the page: the verdict and the main figures when they have changed, after a pause. */
import { useEffect, useState } from 'preact/hooks';
import { useBenchState, useStanding, useUnits, useVerdict } from '../state/use.ts';

/** So long nothing must change before it is said [ms]. Arbitrary: longer than a pause in typing. */
const PAUSE = 1200;

export function Spoken() {
  const { view, problems, beside } = useBenchState('view', 'problems', 'beside');
  const standing = useStanding();
  const verdict = useVerdict();
  const units = useUnits();
  const [said, say] = useState('');
  const budget = view?.shown[units]?.budget;
  const words =
    standing === 'working' || (standing === 'current' && view !== null && verdict === 'open')
      ? 'Working'
      : standing !== 'current'
        ? `Not current: ${problems.length + beside.length} to mend`
        : view === null || budget === undefined
          ? ''
          : `${verdict}: drop ${budget.text} of ${budget.limitText}`;
  useEffect(() => {
    const clock = setTimeout(() => say(words), PAUSE);
    return () => clearTimeout(clock);
  }, [words]);
  return (
    <p class="of" role="status" aria-label="Result">
      {said}
    </p>
  );
}
