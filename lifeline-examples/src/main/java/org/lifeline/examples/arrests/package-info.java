/**
 * Runs a whole design: every fall at every service temperature with both deployment forces, and picks what governs.
 *
 * <p>Loads and distances both take their extreme over all cases; the case that governs is named with it.
 */
@NullMarked
package org.lifeline.examples.arrests;

import org.jspecify.annotations.NullMarked;
