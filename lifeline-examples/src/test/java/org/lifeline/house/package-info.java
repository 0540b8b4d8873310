/** Rules of the files beside the command line. */
@NullMarked
package org.lifeline.house;

import org.jspecify.annotations.NullMarked;
