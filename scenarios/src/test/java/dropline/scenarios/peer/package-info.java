/** Tools of others that check what Dropline writes and says. */
package dropline.scenarios.peer;
