/**
 * Floor 7c: what stands at the end of a report and is the same for every design: the theory that its calculation cites. Uses
 * {@code report.document} only.
 */
@NullMarked
package org.lifeline.report.appendix;

import org.jspecify.annotations.NullMarked;
