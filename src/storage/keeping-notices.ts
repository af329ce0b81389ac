/** What is said of the plans kept in this browser: each holds where it is said. */
export const NOTICES = {
  nowhere:
    'This browser keeps no plans here. It is tried again; until then save the plan to a file before you leave.',
  newer:
    'The plans here are kept by a newer version of this program, which this one cannot read. Load the page again, or save the plan to a file.',
  lost: 'The browser has closed its store: the last changes are not kept. It is tried again; save the plan to a file before you leave.',
  full: 'There is no room left on the disk: the last changes are not kept. It is tried again. Free some room, or save the plan to a file.',
  failed:
    'The last changes could not be kept in this browser. It is tried again; save the plan to a file before you leave.',
  elsewhere:
    'This plan is being changed in another window too. What you change here will be kept as a plan of its own.',
  parted:
    'This plan was changed in another window too. Both are kept, as two plans, in the list under Plans.',
  unreadable:
    'A plan kept in this browser can no longer be read. Its text can be saved from the list under Plans.',
  noRoom: 'There is no room to keep this version. Free some room, or save the plan to a file.',
  noRoomAside: 'There is no room to keep another plan. Free some room, or save the plan to a file.',
} as const
