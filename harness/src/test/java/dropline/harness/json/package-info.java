/** Holds the JSON document to its description. */
@NullMarked
package dropline.harness.json;

import org.jspecify.annotations.NullMarked;
