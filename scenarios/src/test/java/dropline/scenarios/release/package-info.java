/** The release zip as a builder meets it: unpacked, with nothing but Java at hand. Never looks into the jars. */
@NullMarked
package dropline.scenarios.release;

import org.jspecify.annotations.NullMarked;
