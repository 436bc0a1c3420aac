### Plan

