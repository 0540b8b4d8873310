/**
 * Appendices of a report: the theory that its calculation cites, and how far the methods were found to agree.
 *
 * <p>The numbers of the paragraphs of the theory are those of the theory pages of the library: 1 to 6 the mechanics of the line.
 */
@NullMarked
package org.lifeline.report.section.appendix;

import org.jspecify.annotations.NullMarked;
