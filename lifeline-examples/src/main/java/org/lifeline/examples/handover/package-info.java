/**
 * Example programs on what a design hands over: loads for the structure, number of workers, clearance along the line, installation,
 * data sheet. Each takes a design file, or the demonstration design.
 */
@NullMarked
package org.lifeline.examples.handover;

import org.jspecify.annotations.NullMarked;
