/**
 * Floor 3: a line through its history: heated, loaded by one load after the other, each change followed along its path.
 * Not part of the public interface. May use {@code internal.line}, {@code internal.numeric}, {@code model} and
 * {@code base}.
 *
 * <p>Where an anchor has friction, or two in-line absorbers remember what they had, the state depends on the way to it;
 * then a change is followed in steps that end where an anchor begins to slip, an absorber begins to yield, or something
 * that moves comes to rest, and that are so short that the work done on the line agrees with the energy that it holds
 * and turns to heat. See {@code src/docs/theory/mechanics.md}.
 *
 * <p>Start reading with {@code LineModel} (what an analysis holds), then {@code LoadPath} (how one load grows) and
 * {@code PathStep} (one step of it).
 */
@NullMarked
package org.lifeline.internal.path;

import org.jspecify.annotations.NullMarked;
