/**
 * A whole design as it is printed and written: every fall at every service temperature with both deployment forces, and what
 * governs.
 */
@NullMarked
package org.lifeline.examples.arrests;

import org.jspecify.annotations.NullMarked;
