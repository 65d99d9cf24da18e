@NullMarked
package dropline.harness.symptom;

import org.jspecify.annotations.NullMarked;
