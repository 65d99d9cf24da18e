/** Links, all held to one contract. */
package dropline.harness.link;
