/** Tests of pages in a browser, where one is installed. */
@NullMarked
package org.lifeline.examples.browser;

import org.jspecify.annotations.NullMarked;
