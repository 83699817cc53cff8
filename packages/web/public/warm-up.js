// What a browser does slowly the first time and quickly ever after, done while the app's code still comes: its first format of figures
// and of days, and the classes of signs that messages are read by.
new Intl.NumberFormat([], { maximumFractionDigits: 1 }).format(0.5)
new Intl.DateTimeFormat([], { month: 'short' }).format(0)
;/[^\p{White_Space}\p{Pattern_Syntax}]/u.test('a')
