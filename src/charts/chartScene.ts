import {
  BarController,
  BarElement,
  BasicPlatform,
  CategoryScale,
  Chart,
  Legend,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  SubTitle,
  Title,
  type ChartConfiguration,
} from 'chart.js';
import type { Scene } from '../draw/scene.js';
import { SceneContext } from '../draw/sceneContext.js';
import { FONT_FAMILY, SIZE } from '../draw/theme.js';

// what our charts are made of, and no more: the page carries it
Chart.register(BarController, BarElement, LineController, LineElement, PointElement);
Chart.register(CategoryScale, LinearScale, Legend, SubTitle, Title);

/** Size [px] and words of a chart that is laid out as a scene. */
export interface ChartSceneOptions {
  width?: number;
  height?: number;
  /** leave out the chart's own title: a caption stands beside it */
  bare?: boolean;
  title: string;
  description: string;
  /** told of the chart once it is drawn */
  drawn?: (chart: Chart) => void;
}

/**
 * A chart's configuration to a scene, through the same chart library that draws the pictures; needs no canvas and no
 * browser, and works in one.
 */
export function chartScene(config: ChartConfiguration, options: ChartSceneOptions): Scene {
  const { width = SIZE.width, height = SIZE.height, bare = false, title, description, drawn } = options;
  const context = new SceneContext(width, height);
  const own = config.options ?? {};
  const plugins = bare
    ? { ...own.plugins, title: { display: false }, subtitle: { display: false } }
    : (own.plugins ?? {});
  const chart = new Chart(
    context.canvas as unknown as ConstructorParameters<typeof Chart>[0],
    {
      ...config,
      platform: BasicPlatform,
      options: {
        ...own,
        font: { ...own.font, family: FONT_FAMILY },
        animation: false,
        responsive: false,
        devicePixelRatio: 1,
        plugins,
        // lines are then drawn step by step, not as a path object that hides its points
        datasets: { line: { segment: {} } },
      },
    } as ChartConfiguration,
  );
  drawn?.(chart);
  chart.destroy();
  return { width, height, title, description, shapes: context.shapes };
}
