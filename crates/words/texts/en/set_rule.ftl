### Set rule

