/**
 * Floor 3: one span: the elastic catenary, an unloaded span found from one number that is known, and one with a single
 * load. Not part of the public interface. May use {@code internal.numeric}, {@code model} and {@code base}.
 *
 * <p>Signs: z up; the tension vector at arc length s is the force of the cable beyond s on the cable before it. Start
 * reading with {@code ElasticCatenary}; the numbers that steer the searches stand in {@code CatenaryTolerances}.
 */
@NullMarked
package org.lifeline.internal.catenary;

import org.jspecify.annotations.NullMarked;
