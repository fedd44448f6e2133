// Registers Qt Test classes so that one binary can run all those of a layer.
#pragma once

#include <QObject>

#include <functional>
#include <memory>
#include <vector>

namespace rickyard::test {

using Factory = std::function<std::unique_ptr<QObject>()>;

std::vector<Factory> &factories();

template <class T>
struct Register {
    Register()
    {
        factories().push_back([] { return std::make_unique<T>(); });
    }
};

} // namespace rickyard::test

// Put below a test class: RICKYARD_TEST(TstName)
#define RICKYARD_TEST(Class) static const rickyard::test::Register<Class> register##Class;
