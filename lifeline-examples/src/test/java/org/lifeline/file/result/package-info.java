/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.file.result;

import org.jspecify.annotations.NullMarked;
