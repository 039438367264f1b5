import { useLayoutEffect, useRef } from 'preact/hooks';
import { drawSight, type Pyramid } from './pyramid.ts';
import type { Spot } from './work.ts';

/** Across and down, in px of the screen. */
const ROOM = { width: 128, height: 128 };
/** How many times larger than in the stage, and at least how many px of the screen one of the picture takes. */
const LARGER = 4;
const LEAST = 1.5;

/** What lies round a spot, enlarged, with a cross at the spot itself. */
export function Lens({ pyramid, spot, scale, side }: { pyramid: Pyramid; spot: Spot; scale: number; side: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const { width, height } = ROOM;
    const dense = devicePixelRatio;
    const element = canvas.current!;
    element.width = width * dense;
    element.height = height * dense;
    const large = Math.max(scale * LARGER, LEAST);
    const sight = { scale: large, x: width / 2 - spot[0] * large, y: height / 2 - spot[1] * large };
    const context = element.getContext('2d')!;
    drawSight(context, pyramid, sight, ROOM, dense);
  }, [pyramid, spot[0], spot[1], scale]);
  return (
    <div class={`picture-lens ${side}`} aria-hidden="true">
      <canvas ref={canvas} />
      <svg viewBox={`0 0 ${ROOM.width} ${ROOM.height}`} role="presentation">
        {['halo', 'cross'].map((kind) => (
          <path key={kind} class={kind} d="M64 8V56M64 72V120M8 64H56M72 64H120" />
        ))}
      </svg>
    </div>
  );
}
