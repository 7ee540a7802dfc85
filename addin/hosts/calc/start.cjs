/* What Node is given to run. Any Node reads this, however old; the engine is for those that are new enough. */

var least = require('./names.json').leastNode;
var version = process.versions.node;

if (parseInt(version, 10) < least) process.stdout.write('{"ready":"' + version + '"}\n');
else require('./engine.cjs');
