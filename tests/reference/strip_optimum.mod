# Strip packing of a few rectangles as a mixed-integer programme, for GLPK's general-purpose solver. The optima in
# strip_optimum_test.cpp were found so: glpsol --cuts -m strip_optimum.mod -d instance.dat, the data as
#   data; set P := 1 2; param W := 11; param turn := 0; param a := 1 4 2 4; param h := 1 3 2 4; end;
# x across and y along are the corner of a piece, t is 1 where it is turned; of two pieces one lies left of or before
# the other.
set P;
param W;
param turn, binary;
param a{P};
param h{P};
param U := sum{i in P} max(a[i], h[i]);
var x{P} >= 0;
var y{P} >= 0;
var t{P} binary;
var L >= 0;
var left{i in P, j in P: i != j} binary;
var ahead{i in P, j in P: i != j} binary;
minimize length: L;
s.t. unturned{i in P: turn = 0 or a[i] = h[i]}: t[i] = 0;
s.t. onStrip{i in P}: x[i] + a[i] + (h[i] - a[i]) * t[i] <= W;
s.t. ends{i in P}: y[i] + h[i] + (a[i] - h[i]) * t[i] <= L;
s.t. leftOf{i in P, j in P: i != j}: x[i] + a[i] + (h[i] - a[i]) * t[i] <= x[j] + W * (1 - left[i,j]);
s.t. aheadOf{i in P, j in P: i != j}: y[i] + h[i] + (a[i] - h[i]) * t[i] <= y[j] + U * (1 - ahead[i,j]);
s.t. apart{i in P, j in P: i < j}: left[i,j] + left[j,i] + ahead[i,j] + ahead[j,i] >= 1;
s.t. area: W * L >= sum{i in P} a[i] * h[i];
solve;
printf "OPTIMUM %g\n", L;
end;
