/**
 * Consistent overhead byte stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7(2), April 1999). Start
 * from {@link dropline.protocol.cobs.Cobs}. Knows no frame and no check.
 */
@NullMarked
package dropline.protocol.cobs;

import org.jspecify.annotations.NullMarked;
