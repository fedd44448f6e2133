// Registers Qt Test classes so that one binary can run all those of a layer.
#pragma once

#include <QObject>
#include <QtTest/qtestcase.h>

#include <functional>
#include <memory>
#include <vector>

// What comes from a thread comes when it comes: five seconds are short for an answer on a busy
// machine under the sanitizers. What holds at once is not held up.
#undef QTRY_VERIFY
#undef QTRY_VERIFY2
#undef QTRY_COMPARE
#define QTRY_VERIFY(expr) QTRY_VERIFY_WITH_TIMEOUT((expr), 60000)
#define QTRY_VERIFY2(expr, words) QTRY_VERIFY2_WITH_TIMEOUT((expr), (words), 60000)
#define QTRY_COMPARE(expr, expected) QTRY_COMPARE_WITH_TIMEOUT((expr), (expected), 60000)

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
