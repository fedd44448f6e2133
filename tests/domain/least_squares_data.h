// Data that the tests of least squares share.
#pragma once

#include "tests/support/reference_table.h"

#include <Eigen/Core>

namespace rickyard::test
{

struct Data {
    Eigen::MatrixXd design;
    Eigen::VectorXd response;
};

inline Eigen::VectorXd vectorOf(const std::vector<double> &values)
{
    return Eigen::Map<const Eigen::VectorXd>(values.data(),
                                             static_cast<Eigen::Index>(values.size()));
}

inline Eigen::VectorXd row(std::initializer_list<double> values)
{
    return vectorOf(std::vector<double>(values));
}

// R's datasets::cars: stopping distance in feet against speed in miles an hour.
inline Data cars()
{
    const ReferenceTable table(QStringLiteral("cars.csv"));
    return {vectorOf(table.column(QStringLiteral("speed"))),
            vectorOf(table.column(QStringLiteral("dist")))};
}

} // namespace rickyard::test
