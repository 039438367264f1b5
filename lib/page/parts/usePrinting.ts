import { useEffect, useMemo, useState } from 'preact/hooks';

/** Whether the page is being laid out for paper. */
export function usePrinting(): boolean {
  const paper = useMemo(() => matchMedia('print'), []);
  const [printing, setPrinting] = useState(paper.matches);
  useEffect(() => {
    const follow = () => setPrinting(paper.matches);
    paper.addEventListener('change', follow);
    return () => paper.removeEventListener('change', follow);
  }, []);
  return printing;
}
