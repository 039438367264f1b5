import { Component, type ComponentChildren } from 'preact';
import { say } from '../../words/say.ts';
import { blockKeys } from '../blockKeys.ts';
import type { Block } from '../blocks.ts';
import { cautionOnPaper } from '../cautions.ts';
import { KeepPart } from '../keep/KeepPart.tsx';
import { PicturePart } from '../picture/PicturePart.tsx';
import { SheetPart } from '../sheet/SheetPart.tsx';
import { ChartPart } from './ChartPart.tsx';
import { CodePart } from './CodePart.tsx';
import { ControlPart } from './ControlPart.tsx';
import { DeferredPart } from './DeferredPart.tsx';
import { DownloadPart } from './DownloadPart.tsx';
import { DrawingsPart } from './DrawingsPart.tsx';
import { FiguresPart } from './FiguresPart.tsx';
import { FindingPart } from './FindingPart.tsx';
import { FormPart } from './FormPart.tsx';
import { HeadingPart } from './HeadingPart.tsx';
import { LinkedPart } from './LinkedPart.tsx';
import { ProsePart } from './ProsePart.tsx';

/** The blocks of a page, each kept by its key when the page is computed afresh. */
export function BlockList({ blocks }: { blocks: readonly Block[] }) {
  const keys = blockKeys(blocks);
  return (
    <>
      {blocks.map((block, index) => (
        <Guard key={keys[index]} block={block}>
          <Part block={block} />
        </Guard>
      ))}
    </>
  );
}

const layouts = {
  stack: 'stack',
  'side by side': 'beside',
  'small side by side': 'beside small',
  'sheet of paper': 'stack sheet-of-paper',
} as const;

function Part({ block }: { block: Block }) {
  switch (block.kind) {
    case 'heading':
      return <HeadingPart block={block} />;
    case 'prose':
      return <ProsePart block={block} />;
    case 'figures':
      return <FiguresPart block={block} />;
    case 'finding':
      return <FindingPart block={block} />;
    case 'chart':
      return <ChartPart block={block} />;
    case 'linked':
      return <LinkedPart block={block} />;
    case 'drawings':
      return <DrawingsPart block={block} />;
    case 'sheet':
      return <SheetPart block={block} />;
    case 'code':
      return <CodePart block={block} />;
    case 'form':
      return <FormPart block={block} />;
    case 'download':
      return <DownloadPart block={block} />;
    case 'picture':
      return <PicturePart block={block} />;
    case 'keep':
      return <KeepPart block={block} />;
    case 'control':
      return <ControlPart block={block} />;
    case 'deferred':
      return <DeferredPart block={block} draw={(blocks) => <BlockList blocks={blocks} />} />;
    case 'group':
      return (
        <div class={layouts[block.layout]}>
          <BlockList blocks={block.blocks} />
          {block.layout === 'sheet of paper' && <p class="note on-paper cautions">{cautionOnPaper}</p>}
        </div>
      );
  }
}

/** One part that can't be drawn says so in its place; the rest of the page stands. */
class Guard extends Component<{ block: Block; children: ComponentChildren }, { failure?: Error; block?: Block }> {
  static override getDerivedStateFromError(failure: Error) {
    return { failure };
  }

  // A new block gets a new try.
  static override getDerivedStateFromProps(props: { block: Block }, state: { block?: Block }) {
    return state.block === props.block ? null : { block: props.block, failure: undefined };
  }

  override render() {
    const { failure } = this.state;
    if (!failure) return this.props.children;
    return (
      <p
        class="trouble"
        role="alert"
      >{say`This part of the page could not be drawn: ${failure.message}. The rest of the page and your tables are untouched.`}</p>
    );
  }
}
