/** What every public type promises, tested over the whole public interface: types and methods are found by reflection. */
@NullMarked
package org.lifeline.contract;

import org.jspecify.annotations.NullMarked;
