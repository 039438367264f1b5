export { type Anova, anova } from './anova.ts';
export { autocorrelation } from './autocorrelation.ts';
export { benjaminiHochberg, benjaminiYekutieli } from './benjaminiHochberg.ts';
export { type BcaLimits, type BootstrapLimits, bcaLimits, bootstrapLimits, type Interval } from './bootstrapLimits.ts';
export { type ClusterBootstrap, type ClusterBootstrapOptions, clusterBootstrap } from './clusterBootstrap.ts';
export { type Concordance, concordance } from './concordance.ts';
export { chiSquared } from './distributions/chiSquared.ts';
export { fDistribution } from './distributions/fDistribution.ts';
export { noncentralF } from './distributions/noncentralF.ts';
export { noncentralT } from './distributions/noncentralT.ts';
export { normal } from './distributions/normal.ts';
export { studentT } from './distributions/studentT.ts';
export { bonferroni, holm } from './holm.ts';
export { type Icc, type IccForm, icc } from './icc.ts';
export { type KendallTau, kendallTau } from './kendallTau.ts';
export { type Limits, type LimitsOfAgreement, limitsOfAgreement, sdOfSingleDifferences } from './limitsOfAgreement.ts';
export {
  type Coefficient,
  type LinearRegression,
  type LinearRegressionOptions,
  linearRegression,
} from './linearRegression.ts';
export { mad } from './mad.ts';
export { mean } from './mean.ts';
export { median } from './median.ts';
export { compareModels } from './mixed/compare.ts';
export type { Data, ModelSpec, RandomSpec } from './mixed/design.ts';
export type { Correlation as RandomCorrelation, Deviation } from './mixed/deviations.ts';
export type { FittedModel } from './mixed/fittedModel.ts';
export type { Estimate } from './mixed/inference.ts';
export { type LeftOut, leaveOneOut } from './mixed/leaveOneOut.ts';
export {
  contrast,
  kenwardRogerEffects,
  type MixedModel,
  type MixedModelSpec,
  mixedModel,
  refitModel,
} from './mixed/mixedModel.ts';
export { ModelSums } from './mixed/modelSums.ts';
export { type BootstrapInterval, type BootstrapOptions, parametricBootstrap } from './mixed/parametricBootstrap.ts';
export { type ProfileInterval, profileIntervals } from './mixed/profile.ts';
export { rSquared } from './mixed/rSquared.ts';
export { simulator } from './mixed/simulate.ts';
export {
  type SimulatedPower,
  type SimulatedPowerOptions,
  type SimulatedTruth,
  simulatedPower,
} from './mixed/simulatedPower.ts';
export { conditionalModes, fittedValues, type Modes } from './mixed/solution.ts';
export type { ModelSumsSpec, Parted } from './mixed/sumSpec.ts';
export { type NormalQuantiles, normalQuantiles } from './normalQuantiles.ts';
export { isMissing, type Numbers, present, presentRows } from './numbers.ts';
export { type Correlation, correlationTest, pearson } from './pearson.ts';
export type { PermutationOptions, PermutationTest } from './permutationTest.ts';
export { permuteTwoGroups, type TwoGroupPermutation } from './permuteTwoGroups.ts';
export { permuteWithin, type WithinPermutation } from './permuteWithin.ts';
export { detectableEffect, type PowerOptions, powerOfEstimate } from './powerOfEstimate.ts';
export { type MeansDesign, type MeansOptions, pairsNeeded, powerOfMeans } from './powerOfMeans.ts';
export { powerOfCorrelation, powerOfF } from './powerOfTests.ts';
export { type QuantileType, quantile, quantileSorted } from './quantile.ts';
export { type Random, random } from './random.ts';
export { type Repeatability, repeatability, repeatabilityCoefficient } from './repeatability.ts';
export { rowsByGroup } from './rowsByGroup.ts';
export { sd, variance } from './sd.ts';
export { type SiegelSlope, siegelSlope } from './siegelSlope.ts';
export { type SignFlip, signFlip } from './signFlip.ts';
export { type SlopePlan, slopeDesign } from './slopeDesign.ts';
export { sum } from './sum.ts';
export { type Summary, summary } from './summary.ts';
export { type TheilSen, type TheilSenOptions, theilSen } from './theilSen.ts';
export { type TheilSenWithin, type TheilSenWithinOptions, theilSenWithin } from './theilSenWithin.ts';
export { pairedTTest, type TTest, tTest, tTestFromSummary, welchTest } from './tTest.ts';
export { weightedQuantile } from './weightedQuantile.ts';
