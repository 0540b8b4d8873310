/** Tests of the page in a real browser, driven as a user would. */
@NullMarked
package org.lifeline.explorer.browser;

import org.jspecify.annotations.NullMarked;
