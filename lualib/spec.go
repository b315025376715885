package lualib

import (
	"sort"
	"strings"

	"weirbook/notebook/plan"
	"weirbook/notebook/quantity"
)

// ArgKind says what an argument takes.
type ArgKind int

// The kinds of arguments.
const (
	ArgQuantity ArgKind = iota // a quantity of the dimension of Unit
	ArgMoney                   // an amount of money, or money over the dimension of Unit
	ArgNumber                  // a bare number
	ArgCount                   // a whole number, not negative
	ArgText
	ArgBool
	ArgDate
	ArgLink   // the name of a record, or the record itself
	ArgList   // a list of quantities of the dimension of Unit
	ArgNames  // a list of texts
	ArgPoints // a list of {x, y} lengths
	ArgAny    // anything
)

// Arg is one argument of a library function.
type Arg struct {
	Name     string
	Kind     ArgKind
	Unit     string // a unit of the dimension it takes, also used in hints
	Of       string // for links: the function whose record is meant
	Need     bool
	Column   string  // another name that a column of a table may have
	Place    int     // position when it is given without a name, from 1; 0 never
	Default  string  // in words, for the reference text
	Low, Top float64 // inclusive bounds in Unit; both 0 means none
	Above    bool    // must be greater than Low, not equal
	Also     string  // a unit of a second dimension that it takes
	UnitOnly bool    // a unit without a number means one of it
	Rest     bool    // takes all values without a name, as a list
	Doc      string
}

// Field is one field of a result.
type Field struct {
	Name string
	Unit string // unit in which it is shown; "" for text or a count
	Doc  string
}

// Function is one function of the library. The table of these is the one source
// for the argument decoder, the finder of dependencies and the reference text.
type Function struct {
	Module   string // "" for a plain function
	Name     string
	Brief    string
	Args     []Arg
	Result   string  // what it gives, for functions without fields
	Fields   []Field // of its result
	Makes    []plan.Kind
	Reads    []plan.Kind
	Checks   string // what is left to be checked after the cells
	Range    string
	Accuracy string
	Source   string
	Example  string
	Caution  string

	run func(c *callArgs) (any, error)
}

// FullName gives module.name, or the name of a plain function.
func (f *Function) FullName() string {
	if f.Module == "" {
		return f.Name
	}
	return f.Module + "." + f.Name
}

func (f *Function) argNames() []string {
	var names []string
	for _, a := range f.Args {
		names = append(names, a.Name)
	}
	return names
}

func (f *Function) fieldNames() []string {
	var names []string
	for _, field := range f.Fields {
		names = append(names, field.Name)
	}
	return names
}

// standardModules are the language's own modules, which may be used as values.
var standardModules = map[string]bool{"string": true, "table": true, "math": true}

// library is the table of all functions.
type library struct {
	all     []*Function
	plain   map[string]*Function
	modules map[string]map[string]*Function
}

func newLibrary(functions []*Function) *library {
	l := &library{all: functions, plain: map[string]*Function{}, modules: map[string]map[string]*Function{"string": {}, "table": {}, "math": {}}}
	for _, f := range functions {
		if f.Module == "" {
			l.plain[f.Name] = f
			continue
		}
		if l.modules[f.Module] == nil {
			l.modules[f.Module] = map[string]*Function{}
		}
		l.modules[f.Module][f.Name] = f
	}
	return l
}

func (l *library) isModule(name string) bool { return l.modules[name] != nil }

func (l *library) find(module, name string) *Function { return l.modules[module][name] }

// namesIn lists a module's functions.
func (l *library) namesIn(module string) []string {
	var names []string
	for name := range l.modules[module] {
		names = append(names, name)
	}
	sort.Strings(names)
	return names
}

func (l *library) firstIn(module string) string {
	names := l.namesIn(module)
	if len(names) == 0 {
		return "…"
	}
	return names[0]
}

// wantOf says in words what an argument takes.
func (a *Arg) wantOf() string {
	switch a.Kind {
	case ArgQuantity, ArgList:
		what := dimensionWord(a.Unit)
		if a.Unit == "" {
			what = "a number or a quantity"
		}
		if a.Kind == ArgList {
			return "a list of values, each " + what
		}
		return what
	case ArgMoney:
		if a.Unit != "" {
			return "an amount of money per " + a.Unit
		}
		return "an amount of money"
	case ArgNumber:
		return "a number"
	case ArgCount:
		return "a whole number"
	case ArgText:
		return "a text"
	case ArgBool:
		return "true or false"
	case ArgDate:
		return "a date"
	case ArgLink:
		return "the name of a " + a.Of
	case ArgNames:
		return "a list of names"
	case ArgPoints:
		return "a list of points, each two lengths"
	}
	return "a value"
}

// dimensionWord names the dimension of a unit: "a length".
func dimensionWord(unit string) string {
	u, err := quantity.ParseUnit(unit)
	if err != nil {
		return "a quantity"
	}
	switch q := quantity.Must(1, unit); {
	case q.IsPoint():
		return "a temperature"
	case unit == "ppt":
		return "a salinity"
	case u != nil && u.Dimension().IsNone():
		return "a share"
	default:
		return q.Dimension().String()
	}
}

// sampleNumbers are numbers that read as a person would write them.
var sampleNumbers = map[string]string{
	"cm": "60", "mm": "10", "L": "200", "kg": "5", "degC": "25", "ppt": "15", "%": "20", "W": "30", "V": "230", "A": "16", "d": "7", "h": "9",
	"kWh": "0.31", "mg/L": "0.5", "g/d": "12", "L/h": "900", "dGH": "8", "dKH": "6", "mS/cm": "24", "m2/m3": "500", "kPa": "101.3", "cm2": "4800",
}

// exampleOf gives a value to show in hints.
func (a *Arg) exampleOf(number string) string {
	number = strings.TrimSpace(number)
	if number == "" {
		if number = sampleNumbers[a.Unit]; number == "" {
			number = "1"
		}
	}
	switch a.Kind {
	case ArgMoney: // the notebook's own currency is not known here
		if a.Unit != "" {
			return number + " EUR/" + a.Unit
		}
		return number + " EUR"
	case ArgQuantity, ArgList:
		return number + " " + a.Unit
	case ArgDate:
		return "2027-03-06"
	}
	return number
}
