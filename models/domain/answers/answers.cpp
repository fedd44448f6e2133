#include "models/domain/answers/answers.h"

namespace rickyard::domain {

Wording wordingOf(const Books &books)
{
    const Yard yard = books.yard();
    Wording wording;
    wording.metric = yard.metric;
    wording.timeZone = yard.timeZone;
    return wording;
}

Answers answersOf(const Books &books, Instant now, const Stop &stop)
{
    const auto stopped = [&stop] { return stop && stop(); };
    const Wording wording = wordingOf(books);
    Answers answers;
    answers.asOf = now;
    answers.fuel = fuelAnswer(books, now, wording);
    if (stopped())
        return answers;
    answers.seasoning = seasoningOf(books, now); // the wood answer draws on it
    if (stopped())
        return answers;
    answers.wood = woodAnswer(books, answers.fuel, answers.seasoning, now, wording);
    if (stopped())
        return answers;
    answers.upkeep = upkeepAnswer(books, answers.fuel, answers.wood.uses, now, wording, stop);
    answers.burn = burnFirst(books, answers.wood.stock, answers.wood.uses);
    return answers;
}

} // namespace rickyard::domain
