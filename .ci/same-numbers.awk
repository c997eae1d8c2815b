# awk -f same-numbers.awk KEPT NOW: succeeds when both files have the same words and nearly the same numbers, line by line.
# Two numbers are near when they differ by one unit of the last digit printed, or by one part in a thousand.

function abs(x) { return x < 0 ? -x : x }

# The unit of the last digit of a number as it is printed.
function last_digit(text,   dot) {
    dot = index(text, ".")
    return dot == 0 ? 1 : 10 ^ -(length(text) - dot)
}

# Takes the next piece off `rest`: a run of blanks, a number or a single other sign. Sets `piece` and `kind`.
function next_piece() {
    if (match(rest, /^[ \t]+/)) { kind = "blank" }
    else if (match(rest, /^[0-9]+(,[0-9][0-9][0-9])*(\.[0-9]+)?([eE][-+][0-9]+)?/)) { kind = "number" }
    else { kind = "sign"; RSTART = 1; RLENGTH = 1 }
    piece = substr(rest, 1, RLENGTH)
    rest = substr(rest, RLENGTH + 1)
}

function same(kept, now,   kept_rest, now_rest, a, a_kind, x, y) {
    if (kept == now) return 1
    sub(/[ \t\r]+$/, "", kept); sub(/[ \t\r]+$/, "", now)
    kept_rest = kept; now_rest = now
    while (kept_rest != "" && now_rest != "") {
        rest = kept_rest; next_piece(); kept_rest = rest; a = piece; a_kind = kind
        rest = now_rest; next_piece(); now_rest = rest
        if (a_kind != kind) return 0
        if (kind == "sign" && a != piece) return 0
        if (kind == "number" && a != piece) {
            x = a; y = piece; gsub(/,/, "", x); gsub(/,/, "", y)
            if (x ~ /[eE]/ || y ~ /[eE]/) { if (abs(x - y) > 0.001 * abs(x)) return 0 }
            else if (abs(x - y) > 1.001 * last_digit(last_digit(x) > last_digit(y) ? x : y) && abs(x - y) > 0.001 * abs(x)) return 0
        }
    }
    return kept_rest == "" && now_rest == ""
}

FILENAME == ARGV[1] { kept[FNR] = $0; count = FNR; next }

{
    lines = FNR
    if (!(FNR in kept)) { print "+ " $0; bad++ }
    else if (!same(kept[FNR], $0)) { print "- " kept[FNR]; print "+ " $0; bad++ }
    if (bad > 40) { print "…"; exit 1 }
}

END {
    for (i = lines + 1; i <= count && bad <= 40; i++) { print "- " kept[i]; bad++ }
    exit bad > 0
}
