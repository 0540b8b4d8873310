/**
 * Floor 3a: how a line is installed: its unstretched lengths from the one number that fixes them, a tension, a sag or a
 * length, and the state in which it then hangs. Not part of the public interface. May use {@code internal.line}, {@code
 * internal.catenary}, {@code internal.numeric}, {@code model} and {@code base}.
 *
 * <p>Start reading with {@link org.lifeline.internal.line.installation.Installation}; {@code TensionedWithFriction} is the
 * line that was tensioned from one end over supports with friction. Signs as in {@code internal.line}: z up.
 */
@NullMarked
package org.lifeline.internal.line.installation;

import org.jspecify.annotations.NullMarked;
