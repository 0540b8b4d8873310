/** Tests of the package of the same name. */
@NullMarked
package org.lifeline.file.units;

import org.jspecify.annotations.NullMarked;
