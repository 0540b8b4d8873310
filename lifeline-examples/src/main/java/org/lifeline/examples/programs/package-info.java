/**
 * Example programs, one a task, each with a {@code main} of its own. Except {@link org.lifeline.examples.programs.Programs},
 * which lists them, none needs another: each shows everything that its task takes. Those that take a design file read it
 * by {@link org.lifeline.examples.shared.DesignArgument}; without one they take the demonstration design.
 *
 * <p>Lines, workers and numbers are invented.
 */
@NullMarked
package org.lifeline.examples.programs;

import org.jspecify.annotations.NullMarked;
