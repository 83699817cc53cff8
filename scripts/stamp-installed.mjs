// Called by npm after an installation, so that `npm start` and `npm test` need not install again.
import { stampInstalled } from './install.mjs'

stampInstalled()
