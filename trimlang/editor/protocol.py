"""The editors' protocol as pygls speaks it, with an answer to each request and no more kept.

pygls says nothing to a request that it cannot read or that comes after the shutdown, so an
editor would wait for ever; and it keeps what became of each notification.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pygls.exceptions import JsonRpcException, JsonRpcInvalidParams, JsonRpcInvalidRequest
from pygls.protocol import LanguageServerProtocol


class AnsweringProtocol(LanguageServerProtocol):
    """Answers what pygls would leave without an answer; everything else is pygls' own."""

    @property
    def was_shut_down(self) -> bool:
        """Whether the editor has said that it is going."""
        return bool(self._shutdown)

    def structure_message(self, data: dict[str, Any]) -> Any:
        """Return a message's contents as values of its type; see pygls.

        Raises:
            JsonRpcException: they cannot be read; a request is answered with that.
        """
        try:
            return super().structure_message(data)
        except JsonRpcException:
            if "id" in data and "method" in data:
                self._refuse(data["id"], JsonRpcInvalidParams())
            raise

    def handle_message(self, message: Any) -> None:
        """Have a message done; after the shutdown a request is answered with an error."""
        if self.was_shut_down and hasattr(message, "id") and hasattr(message, "method"):
            self._refuse(message.id, JsonRpcInvalidRequest("the server was shut down"))
        else:
            super().handle_message(message)

    def _refuse(self, request: Any, error: JsonRpcException) -> None:
        self._send_response(request, None, error.to_response_error())

    def _execute_handler(
        self,
        msg_id: Any,
        handler: Any,
        callback: Callable[[Any], Any],
        args: tuple[Any, ...] | None = None,
        kwargs: dict[str, Any] | None = None,
    ) -> None:
        def done(future: Any) -> None:
            # pygls forgets those of requests alone
            self._request_futures.pop(msg_id, None)
            callback(future)

        super()._execute_handler(msg_id, handler, done, args, kwargs)
