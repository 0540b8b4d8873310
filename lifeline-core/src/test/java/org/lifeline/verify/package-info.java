/** The verifier passes right results, fails wrong ones, and holds random lines over the whole model to its laws. */
@NullMarked
package org.lifeline.verify;

import org.jspecify.annotations.NullMarked;
