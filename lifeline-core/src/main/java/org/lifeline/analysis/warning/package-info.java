/**
 * Floor 4: what a result warns of, typed, for programs and reports alike.
 *
 * <p>Start with {@link org.lifeline.analysis.warning.Warning}; {@code ArrestResult.warnings()} gives the list. The package
 * uses the JDK only. Values are in SI.
 */
@NullMarked
package org.lifeline.analysis.warning;

import org.jspecify.annotations.NullMarked;
