/**
 * Floor 6: studies. A sweep computes a table over one or two variables; a Monte Carlo study draws variables from stated
 * distributions and gives quantiles with their confidence, and which variable matters most.
 *
 * <p>Uses variables, criteria, the envelope, the analyses, {@code internal.numeric}, the model and base. Start reading at
 * {@link org.lifeline.design.study.MonteCarlo}.
 *
 * <p>A study is the same for any number of threads: every case draws from its own generator, made from the seed and the
 * number of the case, and results are taken in the order of the cases. Memory does not grow with the number of cases: rows go
 * to a sink that the caller passes, statistics are gathered on the way. A case that fails is a row with its reason. Values
 * are SI.
 */
@NullMarked
package org.lifeline.design.study;

import org.jspecify.annotations.NullMarked;
