import { useLayoutEffect, useRef } from 'preact/hooks';

interface EditorProps {
  /** What the cell is: column and unit. */
  readonly label: string;
  readonly text: string;
  /** Told the text as it stands where the page may be left. */
  readonly onPut: (text: string) => void;
  /** Told the text once it is typed, and which way to go on; nothing where the focus went elsewhere. */
  readonly onDone: (text: string, down: number, right: number) => void;
  readonly onGiveUp: () => void;
}

const WAYS: Readonly<Record<string, readonly [down: number, right: number]>> = {
  Enter: [1, 0],
  Tab: [0, 1],
  ArrowDown: [1, 0],
  ArrowUp: [-1, 0],
};

/** A cell while it is typed into: Enter and the arrows go on down and up, Tab to the side, Escape leaves it as it was. */
export function CellEditor({ label, text, onPut, onDone, onGiveUp }: EditorProps) {
  const place = useRef<HTMLInputElement>(null);
  const over = useRef(false);
  useLayoutEffect(() => {
    const input = place.current!;
    input.focus({ preventScroll: true });
    input.setSelectionRange(input.value.length, input.value.length);
  }, []);
  const finish = (down: number, right: number) => {
    // A field that is taken away loses the focus when it is gone already.
    if (over.current || !place.current) return;
    over.current = true;
    onDone(place.current.value, down, right);
  };
  function onKeyDown(event: KeyboardEvent) {
    // Everything typed here is this cell's, and none of the grid's.
    event.stopPropagation();
    if (event.isComposing) return;
    const way = WAYS[event.key];
    if (event.key === 'Escape') {
      over.current = true;
      onGiveUp();
    } else if (way) {
      const back = event.shiftKey && !event.key.startsWith('Arrow') ? -1 : 1;
      finish(way[0] * back, way[1] * back);
    } else return;
    event.preventDefault();
  }
  return (
    <input
      class="cell-editor"
      ref={place}
      type="text"
      defaultValue={text}
      aria-label={label}
      autocomplete="off"
      autocapitalize="off"
      spellcheck={false}
      onKeyDown={onKeyDown}
      onChange={(event) => over.current || onPut(event.currentTarget.value)}
      onBlur={() => finish(0, 0)}
      onCopy={(event) => event.stopPropagation()}
      onCut={(event) => event.stopPropagation()}
      onPaste={(event) => event.stopPropagation()}
      onPointerDown={(event) => event.stopPropagation()}
      onClick={(event) => event.stopPropagation()}
      onDblClick={(event) => event.stopPropagation()}
    />
  );
}
