/** What several tests share: random lines over the whole model, and the code that rebuilds one of them. */
@NullMarked
package org.lifeline.testing;

import org.jspecify.annotations.NullMarked;
