/**
 * Floor 4: the calculation sheet of a result, a list of steps with symbol, formula, numbers, value, unit and source.
 *
 * <p>Start with {@link org.lifeline.analysis.explain.CalculationStep}; {@link
 * org.lifeline.analysis.explain.Explanations} is the one entry. {@code ArrestExplanation} and {@code LineExplanation}
 * write an arrest and a line in equilibrium with the help of one writer for each part; {@code CalculationSheet} collects
 * the rows and settles how many digits each figure is printed with, so that every line comes out as printed.
 *
 * <p>The package reads results of {@code analysis}, and touches neither solvers nor {@code internal} packages. A result
 * calls back into it from {@code explain()} only; see decision 31. Signs are those of the results.
 */
@NullMarked
package org.lifeline.analysis.explain;

import org.jspecify.annotations.NullMarked;
